add_room(belief
  SOURCES belief.cpp measure.cpp normal_strip.cpp patches.cpp probability_sum.cpp raster.cpp scenario.cpp
          strips.cpp update.cpp
  LIBRARIES fmt::fmt sweepwright_geographiclib sweepwright_boost)
