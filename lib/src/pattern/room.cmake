add_room(pattern
  SOURCES contour_levels.cpp contour_search.cpp coordinated_creeping_line.cpp creeping_line.cpp expanding_square.cpp
    ground_lattice.cpp ladder.cpp ladder_rows.cpp level_lines.cpp multi_unit_parallel.cpp parallel_track.cpp pattern.cpp
    plane_line.cpp require.cpp route.cpp sector_search.cpp track_line.cpp
    waypoints.cpp)
