#include "screens/entry/drafts.h"

template struct rb::MadeOnce<rb::screens::AnyDialog>;
