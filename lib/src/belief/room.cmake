add_room(belief
  SOURCES belief.cpp probability_sum.cpp update.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib sweepwright_boost)
