add_room(position
  SOURCES geodesic.cpp local_plane.cpp plotting.cpp position.cpp region.cpp
  LIBRARIES sweepwright_geographiclib sweepwright_boost)
