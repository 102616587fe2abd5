// Sink: where a writer's text goes: a file, standard output, a string.
//
// Problem: a million cells must stream through, so writers hand over pieces, never a whole text.
#pragma once

#include <cstdio>
#include <string>
#include <string_view>

namespace sweepwright::formats {

class Sink {
 public:
  virtual ~Sink() = default;
  /// Takes the next bytes. Throws Error(unwritable) when they cannot be written.
  virtual void write(std::string_view bytes) = 0;

 protected:
  Sink() = default;
  Sink(const Sink&) = default;
  Sink& operator=(const Sink&) = default;
};

/// Keeps everything in a string.
class StringSink : public Sink {
 public:
  void write(std::string_view bytes) override { text_ += bytes; }
  const std::string& text() const { return text_; }

 private:
  std::string text_;
};

/// Writes to an open stream, such as stdout, and leaves it open. `name` stands in messages.
class StreamSink : public Sink {
 public:
  StreamSink(std::FILE* stream, std::string name) : stream_(stream), name_(std::move(name)) {}
  void write(std::string_view bytes) override;
  /// Hands everything on to the system. Throws Error(unwritable) when that fails: call it at the
  /// end.
  void flush();

 private:
  std::FILE* stream_;
  std::string name_;
};

}  // namespace sweepwright::formats
