add_room(pattern
  SOURCES coordinated_creeping_line.cpp creeping_line.cpp expanding_square.cpp ladder.cpp ladder_rows.cpp
    multi_unit_parallel.cpp parallel_track.cpp pattern.cpp plane_line.cpp require.cpp route.cpp
    sector_search.cpp track_line.cpp waypoints.cpp)
