/** A surface like thin glass: hardly there where it is looked at squarely, stronger towards its rim. */
import { type Color, ShaderMaterial } from 'three';

const VERTEX = `
varying vec3 towardEye;
varying vec3 outward;
void main() {
  vec4 eye = modelViewMatrix * vec4(position, 1.0);
  outward = normalMatrix * normal;
  towardEye = isOrthographic ? vec3(0.0, 0.0, 1.0) : -eye.xyz;
  gl_Position = projectionMatrix * eye;
}`;

const FRAGMENT = `
uniform vec3 colour;
varying vec3 towardEye;
varying vec3 outward;
void main() {
  float facing = abs(dot(normalize(outward), normalize(towardEye)));
  float strength = mix(0.42, 0.07, smoothstep(0.0, 0.75, facing));
  gl_FragColor = vec4(colour, strength);
  #include <colorspace_fragment>
}`;

export const shellMaterial = (colour: Color): ShaderMaterial =>
  new ShaderMaterial({
    vertexShader: VERTEX,
    fragmentShader: FRAGMENT,
    uniforms: { colour: { value: colour } },
    transparent: true,
    depthWrite: false,
  });
