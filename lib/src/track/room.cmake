add_room(track
  SOURCES track.cpp)
