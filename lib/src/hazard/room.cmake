add_room(hazard
  SOURCES crew_track.cpp finding.cpp piece_approach.cpp separation.cpp space_track.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib)
