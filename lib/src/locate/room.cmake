add_room(locate
  SOURCES bearing_distance.cpp caret.cpp georef.cpp grid_names.cpp mgrs.cpp notations.cpp points.cpp
    read_lines.cpp read_position.cpp utm.cpp
  LIBRARIES sweepwright_geographiclib)
