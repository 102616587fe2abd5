add_room(effort SOURCES available.cpp optimal.cpp LIBRARIES fmt::fmt)
