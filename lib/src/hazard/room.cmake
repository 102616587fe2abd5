add_room(hazard
  SOURCES crew_track.cpp finding.cpp
  LIBRARIES fmt::fmt)
