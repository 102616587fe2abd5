add_room(pattern
  SOURCES creeping_line.cpp expanding_square.cpp ladder.cpp ladder_rows.cpp parallel_track.cpp
    pattern.cpp require.cpp sector_search.cpp)
