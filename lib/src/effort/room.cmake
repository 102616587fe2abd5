add_room(effort
  SOURCES assign.cpp available.cpp crew.cpp first_layouts.cpp improve.cpp optimal.cpp plane_belief.cpp
          rectangle.cpp
  LIBRARIES fmt::fmt)
