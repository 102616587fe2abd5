add_room(plan SOURCES choose_pattern.cpp plan.cpp)
