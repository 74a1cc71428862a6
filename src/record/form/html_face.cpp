// A face drawn to scale, to be touched.
#include <fmt/format.h>

#include <algorithm>
#include <nlohmann/json.hpp>

#include "record/form/html_parts.h"
#include "record/model/clean_text.h"

namespace rb {

namespace {

constexpr double kFaceWide = 1000, kFaceTall = 520;
constexpr double kFaceLeft = 110, kFaceRight = 90, kFaceTop = 12, kFaceBelow = 44;

// Ever darker, each with a pattern of its own, as on paper: readable without colour.
constexpr std::array<const char*, kDoseClasses> kFillings{
    "<rect width=\"12\" height=\"12\" fill=\"#fff\"/><path d=\"M3 3l6 6M9 3l-6 6\" "
    "stroke=\"#b45013\"/>",
    "<rect width=\"12\" height=\"12\" fill=\"#fbfaf9\"/><path d=\"M0 0l12 12M12 0l-12 12\" "
    "stroke=\"#b45013\"/>",
    "<rect width=\"12\" height=\"12\" fill=\"#e3e6e7\"/><path d=\"M0 12l12-12\" "
    "stroke=\"#212e3a\"/>",
    "<rect width=\"12\" height=\"12\" fill=\"#bbc8d2\"/>",
    "<rect width=\"12\" height=\"12\" fill=\"#8598a6\"/><path d=\"M6 0v12\" stroke=\"#667a8a\"/>",
    "<rect width=\"12\" height=\"12\" fill=\"#405262\"/><circle cx=\"6\" cy=\"6\" r=\"1.5\" "
    "fill=\"#fff\"/>"};

class Drawn {
 public:
  Drawn(const DoseMap& map, const Shown& shown, const std::string& id)
      : map_(map), shown_(shown), id_(id) {
    const double length = std::max(in_metres(map.length), 0.01);
    const double height = std::max(in_metres(map.height), 0.01);
    scale_ = std::min((kFaceWide - kFaceLeft - kFaceRight) / length,
                      (kFaceTall - kFaceTop - kFaceBelow) / height);
    w_ = length * scale_;
    h_ = height * scale_;
  }

  std::string make() {
    const std::string title = html_text(shown_.map_title(map_));
    out_ = fmt::format(
        "<figure class=\"face\" id=\"face-{}\">\n<svg class=\"touch\" viewBox=\"0 0 {:g} {:g}\" "
        "tabindex=\"0\" role=\"img\" aria-label=\"{}\">\n",
        id_, kFaceWide, h_ + kFaceTop + kFaceBelow, title);
    fill();
    openings();
    lines();
    rows();
    blemishes();
    out_ += fmt::format(
        "<rect x=\"{:g}\" y=\"{:g}\" width=\"{:.2f}\" height=\"{:.2f}\" fill=\"none\" "
        "stroke=\"#212e3a\" stroke-width=\"2\"/>\n<rect class=\"mark\" visibility=\"hidden\"/>\n"
        "</svg>\n",
        kFaceLeft, kFaceTop, w_, h_);
    legend();
    story();
    out_ += "</figure>\n";
    return std::move(out_);
  }

 private:
  [[nodiscard]] double px(double x) const { return kFaceLeft + x * scale_; }
  [[nodiscard]] double pz(double z) const { return kFaceTop + h_ - z * scale_; }
  [[nodiscard]] std::string metres_text(Length z) const { return shown_.figure(amount(z)); }

  void text(double x, double y, const char* anchor, const std::string& words) {
    out_ += fmt::format("<text x=\"{:.1f}\" y=\"{:.1f}\" text-anchor=\"{}\">{}</text>\n", x, y,
                        anchor, html_text(words));
  }
  void stroke(double x1, double y1, double x2, double y2, const char* look) {
    out_ += fmt::format("<path d=\"M{:.2f} {:.2f}L{:.2f} {:.2f}\" stroke=\"#212e3a\" {}/>\n", x1,
                        y1, x2, y2, look);
  }

  void fill() {
    const auto bands = dose_bands(map_);
    for (std::size_t i = 0; i < bands.size(); ++i) {
      if (bands.at(i).empty()) continue;
      std::string path;
      for (const DoseBand& b : bands.at(i)) {
        path += fmt::format("M{:.2f} {:.2f}h{:.2f}v{:.2f}h{:.2f}z", px(b.x), pz(b.z + b.h),
                            b.w * scale_, b.h * scale_, -b.w * scale_);
      }
      out_ += fmt::format("<path d=\"{}\" fill=\"url(#dose-{})\"/>\n", path, i);
    }
  }

  void openings() {
    for (const Patch& o : map_.openings) {
      const double x = px(in_metres(o.x));
      const double y = pz(in_metres(o.z + o.h));
      const double w = in_metres(o.w) * scale_;
      const double h = in_metres(o.h) * scale_;
      out_ += fmt::format(
          "<rect x=\"{0:.2f}\" y=\"{1:.2f}\" width=\"{2:.2f}\" height=\"{3:.2f}\" fill=\"#fff\" "
          "stroke=\"#212e3a\"/><path d=\"M{0:.2f} {1:.2f}l{2:.2f} {3:.2f}m0 -{3:.2f}l-{2:.2f} "
          "{3:.2f}\" stroke=\"#5a6b79\"/>\n",
          x, y, w, h);
    }
  }

  // Bays, and the tops of the lifts as they stood.
  void lines() {
    double taken = -1e9;
    for (std::size_t bay = 0; bay < map_.bay_edges.size(); ++bay) {
      const double x = px(in_metres(map_.bay_edges[bay]));
      stroke(x, kFaceTop, x, kFaceTop + h_ + 6, "stroke-dasharray=\"3 4\"");
      if (x - taken > 60) {
        text(x, kFaceTop + h_ + 20, "middle", metres_text(map_.bay_edges[bay]));
        taken = x;
      }
      if (bay + 1 == map_.bay_edges.size()) break;
      const double next = px(in_metres(map_.bay_edges[bay + 1]));
      if (next - x > 60) {
        text((x + next) / 2, kFaceTop + h_ + 38, "middle",
             shown_.say(said("bay {bay}"), {{"bay", std::to_string(bay + 1)}}));
      }
    }
    double free = 1e9;
    for (const DoseMapLift& lift : map_.lifts) {
      for (std::size_t b = 0; b + 1 < map_.bay_edges.size() && b < lift.tops.size(); ++b) {
        const double y = pz(in_metres(lift.tops[b]));
        stroke(px(in_metres(map_.bay_edges[b])), y, px(in_metres(map_.bay_edges[b + 1])), y,
               "stroke-width=\"2\"");
      }
      if (lift.tops.empty()) continue;
      const double y = std::min(pz(in_metres(lift.tops.front())), free);
      free = y - 14;
      text(kFaceLeft - 8, y + 4, "end",
           shown_.say(said("lift {lift}"), {{"lift", std::to_string(lift.lift)}}) + "  " +
               metres_text(*std::max_element(lift.tops.begin(), lift.tops.end())));
    }
  }

  void rows() {
    double free = 1e9;
    for (const DoseMapRow& row : map_.rows) {
      const double y = pz(in_metres(row.z));
      stroke(kFaceLeft, y, kFaceLeft + w_, y, "stroke-dasharray=\"8 4\"");
      for (const Length& x : row.motors) {
        out_ += fmt::format(
            "<circle cx=\"{:.2f}\" cy=\"{:.2f}\" r=\"4\" fill=\"#fff\" stroke=\"#212e3a\" "
            "stroke-width=\"2\"/>",
            px(in_metres(x)), y);
      }
      const double at = std::min(y, free);
      free = at - 14;
      text(kFaceLeft + w_ + 8, at + 4, "start", row.row + "  " + metres_text(row.z));
    }
  }

  void blemishes() {
    for (const DoseMapBlemish& b : map_.blemishes) {
      const double x = px(in_metres(b.patch.x));
      const double y = pz(in_metres(b.patch.z + b.patch.h));
      out_ += fmt::format(
          "<rect x=\"{:.2f}\" y=\"{:.2f}\" width=\"{:.2f}\" height=\"{:.2f}\" fill=\"none\" "
          "stroke=\"#be161b\" stroke-width=\"3\"/>\n",
          x, y, std::max(in_metres(b.patch.w) * scale_, 5.0),
          std::max(in_metres(b.patch.h) * scale_, 5.0));
      text(x, y - 3, "start", std::to_string(b.number));
    }
  }

  void legend() {
    const auto words = dose_legend(map_, shown_.voice().language);
    out_ += "<ul class=\"legend\"><li>" + html_text(shown_.told(said("Vibrated for"))) + "</li>";
    for (std::size_t i = 0; i < words.size(); ++i) {
      out_ += fmt::format(
          "<li><svg viewBox=\"0 0 34 20\" aria-hidden=\"true\"><rect width=\"34\" height=\"20\" "
          "fill=\"url(#dose-{})\" stroke=\"#212e3a\"/></svg>{}</li>",
          i, html_text(words.at(i)));
    }
    out_ += "</ul>\n";
  }

  void story() {
    const SpotStories& told = map_.stories;
    if (told.stories.empty()) return;
    const nlohmann::ordered_json data{{"box", {kFaceLeft, kFaceTop, w_, h_}},
                                      {"across", told.across},
                                      {"up", told.up},
                                      {"lines", told.lines},
                                      {"stories", told.stories},
                                      {"at", told.at}};
    std::string text = data.dump(-1, ' ', false, nlohmann::json::error_handler_t::replace);
    // No text of a user's may end the script it stands in.
    for (auto at = text.find('<'); at != std::string::npos; at = text.find('<', at + 1)) {
      text.replace(at, 1, "\\u003c");
    }
    out_ += fmt::format(
        "<div class=\"story\" aria-live=\"polite\">{}</div>\n",
        html_text(shown_.told(said("Tap the face: what happened at that spot is told here."))));
    out_ += "<script type=\"application/json\">" + text + "</script>\n";
  }

  const DoseMap& map_;
  const Shown& shown_;
  const std::string& id_;
  double scale_ = 1, w_ = 0, h_ = 0;
  std::string out_;
};

}  // namespace

std::string html_fillings() {
  std::string out =
      "<svg width=\"0\" height=\"0\" style=\"position:absolute\" aria-hidden=\"true\"><defs>\n";
  for (std::size_t i = 0; i < kFillings.size(); ++i) {
    out += fmt::format(
        "<pattern id=\"dose-{}\" width=\"12\" height=\"12\" patternUnits=\"userSpaceOnUse\">{}"
        "</pattern>\n",
        i, kFillings.at(i));
  }
  return out + "</defs></svg>\n";
}

std::string html_face(const DoseMap& map, const Shown& shown, const std::string& id) {
  return Drawn{map, shown, id}.make();
}

}  // namespace rb
