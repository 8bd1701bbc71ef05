// The picture a field stop carries, a hair nearer to the viewer than the plate it lies on.
uniform vec3 u_centre;
uniform vec3 u_right;
uniform vec3 u_up;
out vec2 v_at;

void main() {
    v_at = vec2((gl_VertexID & 1) == 1 ? 1.0 : -1.0, (gl_VertexID & 2) == 2 ? 1.0 : -1.0);
    vec3 world = u_centre + v_at.x * u_right + v_at.y * u_up;
    world = mix(world, eye.xyz, 0.001);
    gl_Position = clip_from_world * vec4(world, 1.0);
}
