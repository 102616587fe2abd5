add_room(pattern
  SOURCES creeping_line.cpp expanding_square.cpp ladder.cpp parallel_track.cpp pattern.cpp)
