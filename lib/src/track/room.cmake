add_room(track
  SOURCES cleaning.cpp devices.cpp statistics.cpp track.cpp)
