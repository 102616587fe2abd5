add_room(position
  SOURCES coordinate.cpp coordinate_groups.cpp coordinate_items.cpp geodesic.cpp iso_6709.cpp
    latitude_longitude.cpp local_plane.cpp plain_text.cpp plane_region.cpp plotting.cpp
    plotting_region.cpp position.cpp position_format.cpp region.cpp
  LIBRARIES sweepwright_geographiclib sweepwright_boost)
