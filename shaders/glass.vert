layout(location = 0) in vec3 a_position;
layout(location = 1) in vec3 a_normal;
out vec3 v_world;
out vec3 v_normal;

void main() {
    v_world = a_position;
    v_normal = a_normal;
    gl_Position = clip_from_world * vec4(a_position, 1.0);
}
