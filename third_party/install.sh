#!/bin/sh
# Installs what Risebook is built from and tested with, from Debian 12's own packages.
set -eu
sudo=""
[ "$(id -u)" -eq 0 ] || sudo=sudo
$sudo apt-get update -qq
$sudo env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends \
  g++ cmake ninja-build pkg-config \
  libimgui-dev libglfw3-dev libgl-dev libopengl-dev libegl-dev libgl1-mesa-dri \
  libsqlite3-dev libsqlitecpp-dev libsodium-dev \
  nlohmann-json3-dev libcli11-dev libfmt-dev libexpected-dev libboost-dev libboost-locale-dev gettext \
  libhowardhinnant-date-dev tzdata \
  libcairo2-dev libpango1.0-dev libfontconfig-dev libxlsxwriter-dev zlib1g-dev libasound2-dev \
  libqpdf-dev liblcms2-dev libjpeg62-turbo-dev libvalijson-dev \
  librsvg2-bin desktop-file-utils \
  libx11-dev libxi-dev libxext-dev libxss-dev libxtst-dev libsystemd-dev \
  fonts-b612 doctest-dev \
  xvfb xauth xdotool dbus-daemon imagemagick poppler-utils qpdf
