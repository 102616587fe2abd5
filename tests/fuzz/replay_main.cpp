// Stands in for libFuzzer: hands every file of a folder to the fuzz target, whole and cut short.
#include <cstddef>
#include <cstdint>
#include <cstdio>
#include <filesystem>
#include <fstream>
#include <iterator>
#include <vector>

extern "C" int LLVMFuzzerTestOneInput(const std::uint8_t* data, std::size_t size);

int main(int count, char** arguments) {
  constexpr std::size_t kCuts = 32;
  int seeds = 0;
  for (int i = 1; i < count; ++i) {
    for (const auto& entry : std::filesystem::directory_iterator(arguments[i])) {
      std::ifstream file(entry.path(), std::ios::binary);
      const std::vector<char> bytes{std::istreambuf_iterator<char>(file), {}};
      for (std::size_t cut = 0; cut <= kCuts; ++cut) {
        // A copy of its own, so that the address sanitizer sees a read past the cut.
        const std::vector<std::uint8_t> input(
            bytes.begin(), bytes.begin() + static_cast<std::ptrdiff_t>(bytes.size() * cut / kCuts));
        LLVMFuzzerTestOneInput(input.data(), input.size());
      }
      ++seeds;
    }
  }
  std::printf("%d seeds, each whole and cut short\n", seeds);
  return seeds > 0 ? 0 : 1;
}
