#include "app/outcome.h"

#include <cstdio>

namespace rb {

Exit report(const Error& error) {
  std::fprintf(stderr, "risebook: %s\n", to_text(error).c_str());
  return error.kind == Error::Kind::book ? Exit::book : Exit::usage;
}

}  // namespace rb
