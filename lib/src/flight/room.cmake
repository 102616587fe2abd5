add_room(flight
  SOURCES corner.cpp daylight.cpp endurance.cpp flight_log.cpp flown_path.cpp flown_pattern.cpp
    fuel.cpp glare.cpp join.cpp join_forms.cpp ladder_speeds.cpp leg_order.cpp leg_timing.cpp offset.cpp rings.cpp
    search_light.cpp sun.cpp there_and_back.cpp track_ahead.cpp turn.cpp velocity.cpp wind_field.cpp
    wind_triangle.cpp
  LIBRARIES fmt::fmt)
