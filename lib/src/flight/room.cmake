add_room(flight
  SOURCES corner.cpp endurance.cpp flight_log.cpp flown_path.cpp flown_pattern.cpp fuel.cpp join.cpp
    join_forms.cpp leg_order.cpp leg_timing.cpp offset.cpp turn.cpp velocity.cpp wind_field.cpp
    wind_triangle.cpp
  LIBRARIES fmt::fmt)
