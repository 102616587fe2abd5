add_room(flight
  SOURCES velocity.cpp wind_triangle.cpp
  LIBRARIES fmt::fmt)
