# Dear ImGui from the source third_party/fetch_imgui.sh unpacked:
#   imgui::core      panels and their std::string helpers; knows neither a window nor a graphics interface
#   imgui::backends  the GLFW and OpenGL 3 backends
set(imgui_version 1.90.1)
set(imgui "${CMAKE_CURRENT_SOURCE_DIR}/.cache/imgui-${imgui_version}")
if(NOT EXISTS "${imgui}/imgui.h")
  message(FATAL_ERROR "Dear ImGui ${imgui_version} is not here yet: run  bash third_party/install.sh")
endif()

add_library(imgui_core STATIC
  "${imgui}/imgui.cpp" "${imgui}/imgui_draw.cpp" "${imgui}/imgui_tables.cpp" "${imgui}/imgui_widgets.cpp"
  "${imgui}/misc/cpp/imgui_stdlib.cpp")
target_include_directories(imgui_core SYSTEM PUBLIC "${imgui}" "${imgui}/misc/cpp")
target_compile_definitions(imgui_core PUBLIC IMGUI_DISABLE_OBSOLETE_FUNCTIONS)
target_compile_options(imgui_core PRIVATE -w)
add_library(imgui::core ALIAS imgui_core)

add_library(imgui_backends STATIC
  "${imgui}/backends/imgui_impl_glfw.cpp" "${imgui}/backends/imgui_impl_opengl3.cpp")
target_include_directories(imgui_backends SYSTEM PUBLIC "${imgui}/backends")
target_link_libraries(imgui_backends PUBLIC imgui_core glfw ${CMAKE_DL_LIBS})
target_compile_options(imgui_backends PRIVATE -w)
add_library(imgui::backends ALIAS imgui_backends)
