add_room(terrain
  SOURCES elevation_model.cpp elevation_tile.cpp frame.cpp isolines.cpp layer.cpp surface.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib)
