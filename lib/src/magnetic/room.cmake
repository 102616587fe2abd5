include(embed_data)
add_room(magnetic
  SOURCES built_in_model.cpp decimal_year.cpp field.cpp model.cpp variation.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib)
embed_data(magnetic wmm2025.cof)
