#include "screens/view/intents.h"

template struct rb::MadeOnce<rb::screens::AnyIntent>;
