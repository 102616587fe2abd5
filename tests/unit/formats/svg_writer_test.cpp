// Drawings and their SVG.
//
// Checks against the outside: the SVG is read back with pugixml, an XML parser; the area under a
// hatch is the length of its lines times their distance (Cavalieri's principle); widths of letters
// are those of the font file DejaVuSans.ttf 2.37, table hmtx (units of 1/2048).
#include "sweepwright/formats/svg_writer.hpp"

#include <gtest/gtest.h>
#include <rapidcheck.h>

#include <cmath>
#include <limits>
#include <pugixml.hpp>

#include "sweepwright/base/error.hpp"

namespace sweepwright::formats {
namespace {

const std::string kNasty = "<b>&\"' ]]> -- <script>";

Drawing one_of_each() {
  Drawing drawing;
  drawing.size = {60, 40};
  drawing.title = kNasty;
  drawing.description = "all kinds of elements";
  const Stroke pen{kBlack, 0.5, {2, 1}};
  drawing.elements.push_back({Line{{{1, 1}, {20, 10.005}}, pen}});
  drawing.elements.push_back({Shape{{{{5, 5}, {15, 5}, {15, 15}, {5, 15}}},
                                    pen,
                                    Colour{200, 0, 0, 128},
                                    Hatch{kBlack, 0.1, 2, 45}}});
  drawing.elements.push_back({Disc{{30, 20}, 3, pen, kWhite}});
  drawing.elements.push_back(
      {Group{{{Text{{40, 20}, kNasty, 3, TextAnchor::end, true, -90, kBlack, 0.4}}},
             PaperBox{30, 10, 50, 30}}});
  return drawing;
}

pugi::xml_document parsed(const std::string& svg) {
  pugi::xml_document document;
  const pugi::xml_parse_result result = document.load_string(svg.c_str(), pugi::parse_full);
  EXPECT_TRUE(result) << result.description() << " at " << result.offset;
  return document;
}

TEST(SvgWriter, WritesWellFormedXmlWithTheTextsAsTheyWere) {  // P2
  for (const SvgForm form : {SvgForm::file, SvgForm::inlined}) {
    const pugi::xml_document document = parsed(write_svg(one_of_each(), form));
    const pugi::xml_node svg = document.child("svg");
    EXPECT_EQ(svg.child("title").text().get(), kNasty);
    EXPECT_EQ(svg.child("svg").child("text").text().get(), kNasty);
    EXPECT_STREQ(svg.attribute("viewBox").value(), "0 0 60 40");
  }
}

TEST(SvgWriter, BytesThatXmlCannotHoldBecomeReplacementCharacters) {
  Drawing drawing;
  drawing.size = {10, 10};
  drawing.elements.push_back({Text{{5, 5}, "a\x01\xFFz"}});
  const pugi::xml_document document = parsed(write_svg(drawing));
  EXPECT_STREQ(document.child("svg").child("text").text().get(), "a\xEF\xBF\xBD\xEF\xBF\xBDz");
}

TEST(SvgWriter, AFileHasItsSizeAndNameSpaceAndAnInlinedOneHasNot) {
  const pugi::xml_document file = parsed(write_svg(one_of_each()));
  EXPECT_STREQ(file.child("svg").attribute("width").value(), "60mm");
  EXPECT_STREQ(file.child("svg").attribute("xmlns").value(), "http://www.w3.org/2000/svg");
  EXPECT_EQ(write_svg(one_of_each(), SvgForm::inlined).find("http"), std::string::npos);
}

TEST(SvgWriter, LoadsAndRunsNothing) {  // P3
  const std::string svg = write_svg(one_of_each(), SvgForm::inlined);
  for (const char* loader : {"href", "src=", "url(", "@import", "<script", "<image", " id=\""}) {
    EXPECT_EQ(svg.find(loader), std::string::npos) << loader;
  }
}

TEST(SvgWriter, SameDrawingSameBytes) {  // P1
  EXPECT_EQ(write_svg(one_of_each()), write_svg(one_of_each()));
}

TEST(SvgWriter, RoundsToAHundredthOfAMillimetreWithoutEmptyDigits) {
  Drawing drawing;
  drawing.size = {10, 10};
  drawing.elements.push_back({Line{{{-0.001, 1.5}, {2, 3.14159}}, Stroke{kBlack, 0.25, {}}}});
  const pugi::xml_document document = parsed(write_svg(drawing));
  EXPECT_STREQ(document.child("svg").child("path").attribute("d").value(), "M0 1.5L2 3.14");
}

TEST(SvgWriter, RefusesNumbersThatAreNotFinite) {
  for (const double bad :
       {std::numeric_limits<double>::quiet_NaN(), std::numeric_limits<double>::infinity()}) {
    Drawing drawing;
    drawing.size = {10, 10};
    drawing.elements.push_back({Disc{{bad, 1}, 1, {}, kBlack}});
    EXPECT_THROW(write_svg(drawing), Error);
  }
}

TEST(SvgWriter, WritesOpacityOnlyWhereSomethingShowsThrough) {
  const std::string svg = write_svg(one_of_each());
  EXPECT_NE(svg.find("fill=\"#c80000\" fill-opacity=\"0.5\""), std::string::npos);
  EXPECT_EQ(svg.find("stroke-opacity"), std::string::npos);
}

TEST(Drawing, TextIsAsWideAsTheFontSays) {
  // hmtx: digits 1303, H 1540, i 569 units of 2048.
  EXPECT_NEAR(text_width_mm("0123456789", 2048, false), 13030, 10);
  EXPECT_NEAR(text_width_mm("Hi", 2048, false), 1540 + 569, 2);
  EXPECT_GT(text_width_mm("Hi", 10, true), text_width_mm("Hi", 10, false));
}

TEST(Drawing, BoundsOfATextFollowItsAnchorAndItsTurn) {
  Text text{{50, 50}, "0123456789", 2, TextAnchor::start};
  EXPECT_DOUBLE_EQ(bounds(text).left_mm, 50);
  text.anchor = TextAnchor::end;
  EXPECT_DOUBLE_EQ(bounds(text).right_mm, 50);
  text.turned_deg = -90;  // reads upwards, so its end is at the top
  EXPECT_NEAR(bounds(text).top_mm, 50, 1e-9);
  EXPECT_NEAR(bounds(text).height_mm(), text_width_mm(text.text, 2, false), 1e-9);
}

TEST(Drawing, BoundsHoldLineWidthsAndEndAtAClip) {  // P1
  EXPECT_EQ(*bounds(Element{Line{{{1, 1}, {5, 1}}, Stroke{kBlack, 0.5, {}}}}),
            (PaperBox{0.75, 0.75, 5.25, 1.25}));
  EXPECT_EQ(*bounds(Element{Disc{{5, 5}, 2, {}, kBlack}}), (PaperBox{3, 3, 7, 7}));
  const Element wide{Disc{{5, 5}, 50, {}, kBlack}};
  EXPECT_EQ(*bounds(Element{Group{{wide}, PaperBox{0, 0, 10, 20}}}), (PaperBox{0, 0, 10, 20}));
  EXPECT_FALSE(bounds(Element{Group{{wide}, PaperBox{200, 0, 210, 20}}}).has_value());
}

TEST(Drawing, HatchCoversTheAreaAndLeavesHolesOut) {
  rc::check("length of the hatch times its gap is the area", [] {
    const double direction = *rc::gen::inRange(0, 180);
    const Hatch hatch{kBlack, 0.1, 0.05, direction};
    // 20 by 10 with a hole of 4 by 4: 184 square millimetres.
    const std::vector<PaperLine> rings{{{0, 0}, {20, 0}, {20, 10}, {0, 10}},
                                       {{8, 3}, {12, 3}, {12, 7}, {8, 7}}};
    double length = 0;
    for (const PaperLine& line : hatch_lines(rings, hatch)) {
      length += std::hypot(line[1].x_mm - line[0].x_mm, line[1].y_mm - line[0].y_mm);
      const PaperPoint middle{(line[0].x_mm + line[1].x_mm) / 2, (line[0].y_mm + line[1].y_mm) / 2};
      const bool in_hole =
          middle.x_mm > 8.01 && middle.x_mm < 11.99 && middle.y_mm > 3.01 && middle.y_mm < 6.99;
      RC_ASSERT(!in_hole);
    }
    RC_ASSERT(std::abs(length * hatch.gap_mm - 184) < 2);
  });
}

}  // namespace
}  // namespace sweepwright::formats
