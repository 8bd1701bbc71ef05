flat in vec3 v_light;
flat in float v_length;
in vec2 v_at;
out vec4 o_light;

void main() {
    float across = 1.0 - v_at.y * v_at.y;
    float ends = clamp(min(v_at.x, v_length - v_at.x) + 0.5, 0.0, 1.0);
    o_light = vec4(v_light * (across * across * ends), 1.0);
}
