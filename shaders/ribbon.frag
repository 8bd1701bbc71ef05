flat in vec3 v_light;
flat in float v_length;
in float v_share;
in vec2 v_at;
out vec4 o_light;

#ifdef LIGHT_MOVES
in vec2 v_path;
uniform float u_front;    // how far the packets have come, mm of optical path
uniform float u_spacing;  // from one to the next

// A packet has a sharp head and a tail that fades, so that a still picture tells which way it runs; the beam that it
// runs along stays, dimly.
float packet(float path) {
    float behind_head = mod(u_front - path, u_spacing);
    float tail = exp(-behind_head / 9.0);
    float rise = smoothstep(u_spacing - 1.5, u_spacing, behind_head);
    return 0.10 + 4.5 * max(tail, rise);
}
#endif

void main() {
    float across = 1.0 - v_at.y * v_at.y;
    float ends = clamp(min(v_at.x, v_length - v_at.x) + 0.5, 0.0, 1.0);
#ifdef LIGHT_MOVES
    ends *= packet(v_path.x / v_path.y);
#endif
    o_light = vec4(v_light * (across * across * ends * v_share), 1.0);
}
