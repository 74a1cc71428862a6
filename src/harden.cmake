# risebook_hardened: how what is shipped is compiled and linked (RISEBOOK_HARDEN). Calls of the C
# library are checked for room, the C++ library for its bounds, the stack for what ran over it; the
# program has no fixed address and its table of functions cannot be written once it runs.
# The sanitizers stop at the same places and see more when left alone.
add_library(risebook_hardened INTERFACE)
if(RISEBOOK_HARDEN AND NOT (RISEBOOK_SANITIZE OR RISEBOOK_TSAN OR RISEBOOK_FUZZ))
  include(CheckCXXSourceCompiles)
  set(CMAKE_REQUIRED_FLAGS "-O2 -U_FORTIFY_SOURCE -D_FORTIFY_SOURCE=3")
  check_cxx_source_compiles("#include <features.h>
    #if __USE_FORTIFY_LEVEL < 3
    #error
    #endif
    int main() {}" RISEBOOK_FORTIFIES_3)
  unset(CMAKE_REQUIRED_FLAGS)
  set(fortify 2)
  if(RISEBOOK_FORTIFIES_3)
    set(fortify 3)
  endif()
  target_compile_options(risebook_hardened INTERFACE -fPIE -fstack-protector-strong
    $<$<NOT:$<CONFIG:Debug>>:-U_FORTIFY_SOURCE;-D_FORTIFY_SOURCE=${fortify}>)  # it needs an optimizer
  target_compile_definitions(risebook_hardened INTERFACE _GLIBCXX_ASSERTIONS)
  target_link_options(risebook_hardened INTERFACE
    $<$<STREQUAL:$<TARGET_PROPERTY:TYPE>,EXECUTABLE>:-pie> -Wl,-z,relro -Wl,-z,now)
endif()
