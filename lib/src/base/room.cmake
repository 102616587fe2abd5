add_room(base
  SOURCES error.cpp quantity_text.cpp text.cpp
  LIBRARIES fmt::fmt)
