# The typeface of the window: Inter, from Debian's fonts-inter. Its files are embedded as assets (see
# src/base/CMakeLists.txt), so that the program needs no font on the machine it runs on.
find_file(BEAMFORK_FONT_REGULAR Inter-Regular.otf PATHS /usr/share/fonts/opentype/inter REQUIRED)
find_file(BEAMFORK_FONT_BOLD Inter-SemiBold.otf PATHS /usr/share/fonts/opentype/inter REQUIRED)
