// The steps of the stripped face's panel. Inside this folder.
#pragma once

#include "screens/entry/stage.h"

namespace rb::screens {

/// A panel whose way back leads a step back, not out: false when it was taken.
bool step_panel(Stage& stage, const Box& box, const std::string& title, Box& in,
                Box* beside = nullptr);

/// A blemish drawn and not kept yet: what it is and how large.
void draw_fresh_blemish(Stage& stage, const Box& box, StripDraft& draft, const PourView& view);
/// A blemish, what became of it, and the story of its spot.
void draw_blemish_card(Stage& stage, const Box& box, StripDraft& draft, const BlemishView& blemish);
/// Its repair being told.
void draw_repair(Stage& stage, const Box& box, StripDraft& draft, const BlemishView& blemish);

/// A photo of it chosen among the newest that the camera made.
void draw_photos(Stage& stage, const Box& box, StripDraft& draft, const BlemishView& blemish);

/// "honeycomb", in the reader's language; one that is none of ours as it was told.
std::string blemish_name(const Say& say, const std::string& kind);

/// Three buttons with a size each; the one tapped is typed.
void draw_sizes(Stage& stage, const Box& row, const Patch& patch, std::optional<Length> depth,
                bool may_size, StripDraft& draft);
/// What the pad made of a size: its middle stays, as far as the face lets it.
void resize(const FaceView& face, Figure what, Length size, Patch& patch,
            std::optional<Length>& depth);

}  // namespace rb::screens
