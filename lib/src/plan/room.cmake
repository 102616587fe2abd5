add_room(plan SOURCES checks.cpp choose_pattern.cpp fly.cpp leaves_sector.cpp plan.cpp share_ground.cpp success.cpp)
