add_room(plan SOURCES choose_pattern.cpp fly.cpp plan.cpp share_ground.cpp success.cpp)
