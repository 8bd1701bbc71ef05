# Every file below assets/ and shaders/, and the typeface as fonts/regular.otf and fonts/bold.otf, compiled into
# the library beamfork_assets. base/assets.hpp hands them out by name.
#
# Run as a script with INPUT, OUTPUT and SYMBOL, this file turns one input into one C++ source. Each source
# carries its own size, so that an edited asset rebuilds one small file and needs no new configure.
if(CMAKE_SCRIPT_MODE_FILE)
  file(READ "${INPUT}" bytes HEX)
  string(LENGTH "${bytes}" digits)
  math(EXPR size "${digits} / 2")
  string(REGEX REPLACE "(..)" "\\\\x\\1" literal "${bytes}")
  file(WRITE "${OUTPUT}" "#include <string_view>\n"
                         "extern constinit const std::string_view ${SYMBOL};\n"
                         "constinit const std::string_view ${SYMBOL}{\"${literal}\", ${size}};\n")
  return()
endif()

set(generator "${CMAKE_CURRENT_LIST_FILE}")
set(embedded "${CMAKE_CURRENT_BINARY_DIR}/embedded")

function(embed_asset name path)
  string(MD5 digest "${name}")
  string(SUBSTRING "${digest}" 0 12 digest)
  set(symbol "asset_${digest}")
  set(source "${embedded}/${symbol}.cpp")
  add_custom_command(
    OUTPUT "${source}"
    COMMAND "${CMAKE_COMMAND}" -DINPUT=${path} -DOUTPUT=${source} -DSYMBOL=${symbol} -P "${generator}"
    DEPENDS "${path}" "${generator}"
    COMMENT "Embedding ${name}" VERBATIM)
  list(APPEND asset_sources "${source}")
  string(APPEND asset_symbols "extern constinit const std::string_view ${symbol};\n")
  string(APPEND asset_entries "    {\"${name}\", &${symbol}},\n")
  return(PROPAGATE asset_sources asset_symbols asset_entries)
endfunction()

file(GLOB_RECURSE asset_names CONFIGURE_DEPENDS RELATIVE "${CMAKE_SOURCE_DIR}"
     "${CMAKE_SOURCE_DIR}/assets/*" "${CMAKE_SOURCE_DIR}/shaders/*")
list(FILTER asset_names EXCLUDE REGEX "README\\.md$|^assets/pictures/|~$|\\.sw.$")
foreach(name IN LISTS asset_names)
  embed_asset("${name}" "${CMAKE_SOURCE_DIR}/${name}")
endforeach()
embed_asset(fonts/bold.otf "${BEAMFORK_FONT_BOLD}")
embed_asset(fonts/regular.otf "${BEAMFORK_FONT_REGULAR}")

file(CONFIGURE OUTPUT "${embedded}/asset_table.cpp" @ONLY CONTENT
"#include \"base/asset_table.hpp\"

@asset_symbols@
namespace beamfork {

static const EmbeddedAsset table[]{
@asset_entries@};

std::span<const EmbeddedAsset> embedded_assets() { return table; }

}  // namespace beamfork
")
add_library(beamfork_assets STATIC ${asset_sources} "${embedded}/asset_table.cpp")
target_include_directories(beamfork_assets PRIVATE "${CMAKE_CURRENT_SOURCE_DIR}")
