include(embed_data)
add_room(sweep
  SOURCES built_in_tables.cpp conditions.cpp correction.cpp data_table.cpp detection.cpp
          detection_model.cpp interpolation.cpp lateral_range.cpp lateral_range_reader.cpp
          name_matching.cpp parallel_sweeps.cpp require.cpp search_effort.cpp search_object.cpp
          sector_search.cpp sensor.cpp spacing_plan.cpp sweep_width.cpp table_reader.cpp width_lookup.cpp working.cpp
  LIBRARIES fmt::fmt)
embed_data(sweep sweep_objects.csv sweep_speed.csv sweep_terrain.csv sweep_weather_iamsar.csv
           sweep_weather_iamsar_vessel.csv sweep_weather_us_1991.csv sweep_width_land.csv
           sweep_width_vessel.csv)
