add_room(sector SOURCES cut.cpp cuts.cpp divide.cpp sectors.cpp
  LIBRARIES fmt::fmt)
