add_room(sector SOURCES divide.cpp)
