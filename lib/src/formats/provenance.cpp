#include "sweepwright/formats/provenance.hpp"

#include "formats/json_text.hpp"
#include "sweepwright/formats/cautions.hpp"
#include "sweepwright/formats/time_text.hpp"

namespace sweepwright::formats {
namespace {

constexpr std::string_view kReferenceSystem = "WGS 84";
constexpr std::string_view kNorth = "true north";

}  // namespace

std::string creator(const Provenance& provenance) {
  return "Sweepwright " + provenance.version;
}

std::string provenance_text(const Provenance& provenance) {
  std::string text = "Made by " + creator(provenance) + " at " + format_utc(provenance.stamp);
  text += "\nCommand: " + provenance.command;
  for (const InputDigest& input : provenance.inputs) {
    text += "\nInput: " + input.name + " (SHA-256 " + input.sha256 + ")";
  }
  text += "\nReference system: ";
  text += kReferenceSystem;
  text += "; directions from ";
  text += kNorth;
  for (const std::string_view caution : kCautions) {
    text += '\n';
    text += caution;
  }
  return text;
}

RawJson provenance_json(const Provenance& provenance) {
  std::string inputs = "[";
  for (const InputDigest& input : provenance.inputs) {
    if (inputs.size() > 1) inputs += ',';
    inputs += '{';
    append_json_member(inputs, {"name", input.name});
    inputs += ',';
    append_json_member(inputs, {"sha256", input.sha256});
    inputs += '}';
  }
  inputs += ']';

  const Property members[] = {
      {"program", "Sweepwright"},
      {"version", provenance.version},
      {"command", provenance.command},
      {"stamp", format_utc(provenance.stamp)},
      {"inputs", RawJson{inputs}},
      {"reference_system", std::string(kReferenceSystem)},
      {"north", std::string(kNorth)},
      {"cautions", std::vector<std::string>(kCautions.begin(), kCautions.end())},
  };
  std::string out = "{";
  for (const Property& member : members) {
    if (out.size() > 1) out += ',';
    append_json_member(out, member);
  }
  return {out + "}"};
}

}  // namespace sweepwright::formats
