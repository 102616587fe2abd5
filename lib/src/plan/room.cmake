add_room(plan SOURCES checks.cpp choose_pattern.cpp fly.cpp plan.cpp share_ground.cpp success.cpp)
