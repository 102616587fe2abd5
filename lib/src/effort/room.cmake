add_room(effort SOURCES available.cpp optimal.cpp rectangle.cpp LIBRARIES fmt::fmt)
