add_room(plan SOURCES choose_pattern.cpp plan.cpp time_on_scene.cpp)
