# Embeds shaders/*.glsl as string constants, so that the installed binary needs no search path.
