// Runs numbered tasks on a number of threads; private to the debrief room.
#pragma once

#include <atomic>
#include <cstddef>
#include <thread>
#include <vector>

namespace sweepwright::debrief {

/// Calls task(0) to task(count - 1), each once, in any order. Tasks must not throw.
template <typename Task>
void run_tasks(unsigned threads, std::size_t count, const Task& task) {
  std::atomic<std::size_t> next{0};
  const auto work = [&] {
    for (std::size_t i = next++; i < count; i = next++) task(i);
  };
  std::vector<std::jthread> helpers;
  for (unsigned i = 1; i < threads && i < count; ++i) helpers.emplace_back(work);
  work();
}

}  // namespace sweepwright::debrief
