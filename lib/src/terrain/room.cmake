add_room(terrain
  SOURCES clearance.cpp corridor.cpp corridor_scan.cpp corridor_shape.cpp cover.cpp doubts.cpp elevation_model.cpp elevation_tile.cpp frame.cpp isolines.cpp layer.cpp surface.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib)
