// What is worked out of one lift's concrete, kept with all that it depends on. Inside this room.
#pragma once

#include <optional>
#include <vector>

#include "pour/outlook/form.h"
#include "pour/outlook/knit.h"
#include "trade/dose/dose.h"

namespace rb {

/// The spot of a field with the greatest dose.
struct MostShaken {
  Seconds dose{};
  std::size_t bay = 0;
  Length x, z;
};

/// What the knitting of a lift's top in one bay depends on besides the rows that run.
struct JointQuestion {
  Length z;
  Seconds came{};                 ///< when concrete came there
  Seconds covered{};              ///< when the next lift began to lie on it
  Seconds sets{};                 ///< when it set
  std::optional<Seconds> insert;  ///< the first deep enough after it was covered
  bool operator==(const JointQuestion&) const = default;
};

/// The bay with the largest under-dosed area, and the largest weak patch.
struct WorstPlace {
  std::size_t bay = 0;
  trade::WeakPatch patch;
};

WorstPlace worst_place(const trade::DoseField& field, const std::vector<trade::Band>& bands,
                       Seconds dose_min);

struct LiftLook {
  trade::Face part;  ///< of the face, what the dose depends on
  std::vector<trade::Band> bands;
  Seconds dose_min{};

  std::vector<std::vector<trade::Band>> healed;  ///< by bay: what insertions consolidated

  trade::DoseField field;
  trade::DoseField judged;   ///< the same, and full where insertions consolidated
  trade::DoseShares shares;  ///< `under`: of `judged`; the dose: of `field`
  Area rows_under;           ///< of `field`
  MostShaken most;
  std::vector<bool> shaken;         ///< by bay: whether any spot got some dose
  std::optional<WorstPlace> worst;  ///< worked out when asked for

  struct KnownJoint {
    JointQuestion question;
    Knitting knitting;
  };
  std::vector<std::optional<KnownJoint>> joints;  ///< by bay; those that nothing later can change
  /// All bays were found knitted in time in a pour whose last moment was this.
  std::optional<Seconds> knitted;

  /// Answers for this concrete: those kept, when they were for the same. Under the least dose is
  /// what neither rows nor insertions did; the dose itself is the rows'.
  void look_at(const trade::Face& face, std::vector<trade::Band> in_bands, Seconds least,
               std::vector<std::vector<trade::Band>> by_insertions);
  const WorstPlace& worst_place();
};

}  // namespace rb
