#include "screens/correct/correct_fields.h"

#include <type_traits>
#include <utility>

#include "screens/entry/figure_pad.h"

namespace rb::screens {

namespace {

// Kinds with a lift, a bay or both that a tap may have got wrong.
template <class Kind>
constexpr bool kOfPlacing =
    std::is_same_v<Kind, event::LiftStart> || std::is_same_v<Kind, event::BayStart> ||
    std::is_same_v<Kind, event::Top> || std::is_same_v<Kind, event::LiftEnd> ||
    std::is_same_v<Kind, event::Insert>;

template <class With>
void with_placing(Happening& what, const With& with) {
  std::visit(
      [&]<class Kind>(Kind& kind) {
        if constexpr (kOfPlacing<Kind>) with(kind);
      },
      what);
}

template <class With>
void with_placing(const Happening& what, const With& with) {
  std::visit(
      [&]<class Kind>(const Kind& kind) {
        if constexpr (kOfPlacing<Kind>) with(kind);
      },
      what);
}

}  // namespace

std::vector<CorrectField> fields_to_correct(const Happening& what) {
  std::vector<CorrectField> fields;
  with_placing(what, [&](const auto& kind) {
    if constexpr (requires { kind.lift; }) fields.push_back(CorrectField::lift);
    if constexpr (requires { kind.bay; }) fields.push_back(CorrectField::bay);
  });
  if (std::holds_alternative<event::Truck>(what)) {
    fields = {CorrectField::ticket, CorrectField::volume, CorrectField::batched};
  } else if (std::holds_alternative<event::Test>(what)) {
    fields = {CorrectField::slump, CorrectField::temp};
  } else if (std::holds_alternative<event::ConcreteTemp>(what) ||
             std::holds_alternative<event::AirTemp>(what)) {
    fields = {CorrectField::temp};
  } else if (std::holds_alternative<event::Hang>(what)) {
    fields = {CorrectField::motors};
  }
  return fields;
}

Word correct_word(CorrectField field) {
  switch (field) {
    case CorrectField::lift:
      return Word::correct_lift;
    case CorrectField::bay:
      return Word::correct_bay;
    case CorrectField::ticket:
      return Word::correct_ticket;
    case CorrectField::volume:
      return Word::correct_volume;
    case CorrectField::slump:
      return Word::correct_slump;
    case CorrectField::temp:
      return Word::correct_temp;
    case CorrectField::batched:
      return Word::correct_batched;
    case CorrectField::motors:
      break;
  }
  return Word::correct_motors;
}

std::optional<int> number_in(const Happening& what, CorrectField field) {
  std::optional<int> number;
  with_placing(what, [&](const auto& kind) {
    if constexpr (requires { kind.lift; }) {
      if (field == CorrectField::lift) number = kind.lift;
    }
    if constexpr (requires { kind.bay; }) {
      if (field == CorrectField::bay) number = kind.bay;
    }
  });
  return number;
}

void put_number(Happening& what, CorrectField field, std::optional<int> number) {
  const auto put = [&](auto& to) {
    if constexpr (std::is_same_v<std::remove_reference_t<decltype(to)>, int>) {
      if (number) to = *number;
    } else {
      to = number;
    }
  };
  with_placing(what, [&](auto& kind) {
    if constexpr (requires { kind.lift; }) {
      if (field == CorrectField::lift) put(kind.lift);
    }
    if constexpr (requires { kind.bay; }) {
      if (field == CorrectField::bay) put(kind.bay);
    }
  });
}

FigureEntry figure_in(const Happening& what, CorrectField field, Units units) {
  FigureEntry entry;
  if (const auto* truck = std::get_if<event::Truck>(&what)) {
    entry = {.what = Figure::volume, .guess = shown(truck->volume, units)};
  } else if (const auto* test = std::get_if<event::Test>(&what)) {
    const bool slump = field == CorrectField::slump;
    entry.what = slump ? Figure::slump : Figure::concrete_temp;
    if (slump && test->slump) entry.guess = shown(*test->slump, units);
    if (!slump && test->temp) entry.guess = shown(*test->temp, units);
  } else if (const auto* hardening = std::get_if<event::ConcreteTemp>(&what)) {
    entry = {.what = Figure::hardening, .guess = shown(hardening->temp, units)};
  } else if (const auto* air = std::get_if<event::AirTemp>(&what)) {
    entry = {.what = Figure::air_temp, .guess = shown(air->temp, units)};
  }
  return entry;
}

void put_figure(Happening& what, CorrectField field, double typed, Units units) {
  if (auto* truck = std::get_if<event::Truck>(&what)) {
    truck->volume = volume_of(typed, units);
  } else if (auto* test = std::get_if<event::Test>(&what)) {
    if (field == CorrectField::slump) {
      test->slump = small_length_of(typed, units);
    } else {
      test->temp = temperature_of(typed, units);
    }
  } else if (auto* hardening = std::get_if<event::ConcreteTemp>(&what)) {
    hardening->temp = temperature_of(typed, units);
  } else if (auto* air = std::get_if<event::AirTemp>(&what)) {
    air->temp = temperature_of(typed, units);
  }
}

void put_ticket(Happening& what, const std::string& ticket) {
  if (auto* truck = std::get_if<event::Truck>(&what)) truck->ticket = TicketId{ticket};
  if (auto* discharge = std::get_if<event::Discharge>(&what)) discharge->ticket = TicketId{ticket};
  if (auto* test = std::get_if<event::Test>(&what)) test->ticket = TicketId{ticket};
}

bool may_be_all(const Happening& what) {
  return !std::holds_alternative<event::BayStart>(what);
}

std::optional<Moment> batched_in(const Happening& what) {
  const auto* truck = std::get_if<event::Truck>(&what);
  return truck == nullptr ? std::nullopt : std::optional{truck->batched};
}

void put_batched(Happening& what, Moment batched) {
  if (auto* truck = std::get_if<event::Truck>(&what)) truck->batched = batched;
}

const std::vector<MotorId>* motors_in(const Happening& what) {
  const auto* hang = std::get_if<event::Hang>(&what);
  return hang == nullptr ? nullptr : &hang->motors;
}

void put_motors(Happening& what, std::vector<MotorId> motors) {
  if (auto* hang = std::get_if<event::Hang>(&what)) hang->motors = std::move(motors);
}

}  // namespace rb::screens
