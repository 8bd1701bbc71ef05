#include "render/load_gl.hpp"

#include <glad/gl.h>

namespace beamfork {

bool load_gl(GlAddress (*address_of)(const char* name)) {
    return gladLoadGL(address_of) != 0 && GLAD_GL_VERSION_3_3 != 0;
}

}  // namespace beamfork
