# Finds every library by the Debian package that carries it. Nothing is fetched and nothing of
# others is kept in this tree; a missing one stops here with the name of its package.
function(risebook_need found package what)
  if(NOT ${found})
    message(FATAL_ERROR "Risebook needs ${what}: install the Debian package ${package} "
      "(all at once: third_party/install.sh).")
  endif()
endfunction()

find_package(PkgConfig QUIET)
risebook_need(PKG_CONFIG_FOUND pkg-config "pkg-config")

macro(risebook_find name package what)
  find_package(${name} ${ARGN} QUIET)
  risebook_need(${name}_FOUND ${package} ${what})
endmacro()
macro(risebook_find_pc target module package what)
  pkg_check_modules(${target} QUIET IMPORTED_TARGET ${module})
  risebook_need(${target}_FOUND ${package} ${what})
endmacro()

risebook_find(Threads libc6-dev "POSIX threads")
risebook_find(fmt libfmt-dev "the text formatter fmt")
risebook_find(tl-expected libexpected-dev "the result type tl::expected")
risebook_find(Boost libboost-dev "Boost.Units")
risebook_find(date libhowardhinnant-date-dev "the date and time zone library")
risebook_find(nlohmann_json nlohmann-json3-dev "the JSON library")
risebook_find(CLI11 libcli11-dev "the command line library CLI11")
risebook_find(doctest doctest-dev "the test library doctest")
risebook_find(SQLite3 libsqlite3-dev "SQLite 3")
risebook_find(SQLiteCpp libsqlitecpp-dev "SQLiteCpp")
risebook_find(OpenGL libgl-dev "OpenGL")
risebook_need(OPENGL_opengl_LIBRARY libopengl-dev "OpenGL, as EGL wants it")
risebook_need(OpenGL_EGL_FOUND libegl-dev "EGL, for pictures without a display")
risebook_find(glfw3 libglfw3-dev "GLFW" 3.3 CONFIG)
risebook_find_pc(alsa alsa libasound2-dev "the ALSA library, for the tones")
risebook_find_pc(imgui imgui libimgui-dev "Dear ImGui")
risebook_find_pc(sodium libsodium libsodium-dev "libsodium")
risebook_find_pc(pangocairo pangocairo libpango1.0-dev "Pango and Cairo")
risebook_find_pc(fontconfig fontconfig libfontconfig-dev "Fontconfig")
risebook_find_pc(xlsxwriter xlsxwriter libxlsxwriter-dev "libxlsxwriter")

# The typeface is built into the program so that it stands alone on the tablet.
find_file(RISEBOOK_FONT_REGULAR B612-Regular.otf PATHS /usr/share/fonts/opentype/b612)
find_file(RISEBOOK_FONT_BOLD B612-Bold.otf PATHS /usr/share/fonts/opentype/b612)
risebook_need(RISEBOOK_FONT_REGULAR fonts-b612 "the typeface B612")
risebook_need(RISEBOOK_FONT_BOLD fonts-b612 "the typeface B612")

include(${CMAKE_CURRENT_LIST_DIR}/embed.cmake)
