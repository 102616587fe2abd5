add_room(debrief
  SOURCES swept_piece.cpp)
