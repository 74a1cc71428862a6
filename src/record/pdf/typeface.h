// The record's typeface, carried in the program: the tablet need not have it.
#pragma once

namespace rb {

/// Makes the typeface known to the text library, once for the whole run. Where that cannot be done
/// an installed one is used, and any other after that.
void bring_typeface();

}  // namespace rb
