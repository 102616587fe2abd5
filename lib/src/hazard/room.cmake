add_room(hazard
  SOURCES air.cpp climb.cpp climb_performance.cpp crew_track.cpp finding.cpp leg_name.cpp minima.cpp
    piece_approach.cpp separation.cpp space_track.cpp terrain_check.cpp terrain_findings.cpp
    turning_room.cpp words.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib)
