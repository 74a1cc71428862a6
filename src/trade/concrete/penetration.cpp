#include "trade/concrete/penetration.h"

#include <fmt/format.h>

#include <boost/math/distributions/students_t.hpp>
#include <cmath>

#include "trade/shape/bounds.h"

namespace rb::trade {
namespace {

double in_megapascals(Pressure p) {
  return in_kilopascals(p) / 1000.0;
}

// The two-sided 95 % point of Student's t.
double student_95(int degrees_of_freedom) {
  return quantile(boost::math::students_t(degrees_of_freedom), 0.975);
}

std::optional<Error> fault_of(const std::vector<PenetrationReading>& readings) {
  if (readings.size() < 3) {
    return Error{Error::Kind::refused,
                 said("penetration readings"),
                 {said("{readings} of the three readings a fit needs at least"),
                  {{"readings", counted(readings.size())}}},
                 said("Take more readings")};
  }
  for (std::size_t i = 0; i < readings.size(); ++i) {
    const Saying where{said("penetration reading {number}"), {{"number", counted(i + 1)}}};
    if (auto fault = outside(where, {{said("time"), in_hours(readings[i].at), 0.001, 100.0, "h"},
                                     {said("resistance"), in_megapascals(readings[i].resistance),
                                      0.001, 100.0, "MPa"}})) {
      return fault;
    }
    if (i == 0) continue;
    const bool later = readings[i].at > readings[i - 1].at;
    const bool harder = readings[i].resistance > readings[i - 1].resistance;
    if (!later || !harder) {
      return Error{Error::Kind::refused, where,
                   later ? said("the resistance is not over that of the reading before")
                         : said("the time is not after that of the reading before"),
                   said("Strike out the false reading or take more")};
    }
  }
  return std::nullopt;
}

}  // namespace

Result<PenetrationFit> fit_penetration(const std::vector<PenetrationReading>& readings) {
  if (auto fault = fault_of(readings)) return Failed(*std::move(fault));
  PenetrationFit fit;
  const auto n = static_cast<double>(readings.size());
  fit.readings = static_cast<int>(readings.size());
  fit.first = readings.front().at;
  fit.last = readings.back().at;
  for (const PenetrationReading& r : readings) {
    fit.mean_ln_hours += std::log(in_hours(r.at)) / n;
    fit.mean_ln_mpa += std::log(in_megapascals(r.resistance)) / n;
  }
  double products = 0.0;
  double spread_ln_mpa = 0.0;
  for (const PenetrationReading& r : readings) {
    const double x = std::log(in_hours(r.at)) - fit.mean_ln_hours;
    const double y = std::log(in_megapascals(r.resistance)) - fit.mean_ln_mpa;
    fit.spread_ln_hours += x * x;
    spread_ln_mpa += y * y;
    products += x * y;
  }
  fit.slope = products / fit.spread_ln_hours;
  fit.intercept = fit.mean_ln_mpa - fit.slope * fit.mean_ln_hours;
  fit.correlation = products / std::sqrt(fit.spread_ln_hours * spread_ln_mpa);
  double residuals = 0.0;
  for (const PenetrationReading& r : readings) {
    const double off = std::log(in_megapascals(r.resistance)) - fit.intercept -
                       fit.slope * std::log(in_hours(r.at));
    residuals += off * off;
  }
  fit.residual_deviation = std::sqrt(residuals / (n - 2.0));
  return fit;
}

Result<SetTime> set_time(const PenetrationFit& fit, Pressure threshold) {
  if (auto fault = outside(said("time of setting"),
                           {{said("threshold"), in_megapascals(threshold), 0.001, 100.0, "MPa"}})) {
    return Failed(*std::move(fault));
  }
  const double y = std::log(in_megapascals(threshold));
  const double ln_hours = (y - fit.intercept) / fit.slope;
  const double off = ln_hours - fit.mean_ln_hours;
  const double error = fit.residual_deviation / fit.slope *
                       std::sqrt(1.0 / fit.readings + off * off / fit.spread_ln_hours);
  const double margin = student_95(fit.readings - 2) * error;
  const double at = std::exp(ln_hours);
  const Seconds set = hours(at);
  return SetTime{set, hours(at * error), hours(std::exp(ln_hours - margin)),
                 hours(std::exp(ln_hours + margin)), set < fit.first || set > fit.last};
}

}  // namespace rb::trade
