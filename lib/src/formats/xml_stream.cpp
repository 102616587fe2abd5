#include "formats/xml_stream.hpp"

#include <expat.h>
#include <fmt/format.h>

#include <array>
#include <exception>
#include <memory>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

/// Deeper nesting than any log has.
constexpr int kDeepest = 256;

std::string_view local_name(const char* name) {
  const std::string_view whole(name);
  const std::size_t colon = whole.rfind(':');
  return colon == std::string_view::npos ? whole : whole.substr(colon + 1);
}

struct Reading {
  XML_Parser parser;
  const XmlEvents& events;
  int depth = 0;
  std::exception_ptr failure;  // expat is C: nothing may be thrown through it

  template <typename Action>
  void safely(const Action& action) {
    if (failure) return;
    try {
      action();
    } catch (...) {
      failure = std::current_exception();
      XML_StopParser(parser, XML_FALSE);
    }
  }
  long line() const { return static_cast<long>(XML_GetCurrentLineNumber(parser)); }
};

void on_start(void* user, const XML_Char* name, const XML_Char** attributes) {
  Reading& reading = *static_cast<Reading*>(user);
  reading.safely([&] {
    if (++reading.depth > kDeepest) {
      throw Error(ErrorCode::input, fmt::format("the XML has elements more than {} deep", kDeepest),
                  "", "");
    }
    XmlElement element{local_name(name), {}, reading.line()};
    for (; *attributes != nullptr; attributes += 2) {
      element.attributes.emplace_back(local_name(attributes[0]), attributes[1]);
    }
    reading.events.start(element);
  });
}

void on_end(void* user, const XML_Char* name) {
  Reading& reading = *static_cast<Reading*>(user);
  --reading.depth;
  reading.safely([&] { reading.events.end(local_name(name), reading.line()); });
}

void on_text(void* user, const XML_Char* text, int length) {
  Reading& reading = *static_cast<Reading*>(user);
  reading.safely([&] { reading.events.text({text, static_cast<std::size_t>(length)}); });
}

void on_document_type(void* user, const XML_Char*, const XML_Char*, const XML_Char*, int) {
  Reading& reading = *static_cast<Reading*>(user);
  reading.safely([&] {
    throw Error(ErrorCode::input, "the XML has a document type, which no log needs",
                "take out the line that begins with <!DOCTYPE",
                fmt::format("line {}", reading.line()));
  });
}

struct Free {
  void operator()(XML_Parser parser) const { XML_ParserFree(parser); }
};

}  // namespace

std::string_view XmlElement::attribute(std::string_view wanted) const {
  for (const auto& [key, value] : attributes) {
    if (key == wanted) return value;
  }
  return {};
}

std::string read_xml(std::istream& stream, const XmlEvents& events) {
  const std::unique_ptr<XML_ParserStruct, Free> parser(XML_ParserCreate(nullptr));
  Reading reading{parser.get(), events, 0, nullptr};
  XML_SetUserData(parser.get(), &reading);
  XML_SetElementHandler(parser.get(), on_start, on_end);
  XML_SetCharacterDataHandler(parser.get(), on_text);
  XML_SetStartDoctypeDeclHandler(parser.get(), on_document_type);
  std::array<char, 65536> bytes{};
  while (true) {
    stream.read(bytes.data(), static_cast<std::streamsize>(bytes.size()));
    const auto count = static_cast<int>(stream.gcount());
    const bool last = count == 0;
    const XML_Status status = XML_Parse(parser.get(), bytes.data(), count, last ? 1 : 0);
    if (reading.failure) std::rethrow_exception(reading.failure);
    if (status != XML_STATUS_OK) {
      return fmt::format("the XML breaks off on line {} ({}); what stands before is used",
                         reading.line(), XML_ErrorString(XML_GetErrorCode(parser.get())));
    }
    if (last) return {};
  }
}

}  // namespace sweepwright::formats
