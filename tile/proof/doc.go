// Package proof renders what the camera will record: rays are traced from the lens's pupil through the drop,
// or past it, to the backdrop.
//
// Frame: pixels, origin at the frame's top-left corner, whole numbers at pixel corners; layout.Camera.At says
// where a pixel looks. Each pixel is the mean of rays through its area, widened by diffraction, over the pupil,
// and over the exposure, in which drops may move. All pixels use one fixed set of rays, spread evenly, so a
// picture has no noise and is the same on every run; what lies between the rays is averaged by the texture.
package proof
