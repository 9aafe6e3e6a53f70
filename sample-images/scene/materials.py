"""Blender materials of the scene. One Blender unit is one millimetre."""

import bpy


def _material(name):
    material = bpy.data.materials.new(name)
    material.use_nodes = True
    nodes, links = material.node_tree.nodes, material.node_tree.links
    nodes.clear()
    output = nodes.new("ShaderNodeOutputMaterial")
    return material, nodes, links, output


def _principled(nodes, colour=None, roughness=0.5, specular=0.5):
    shader = nodes.new("ShaderNodeBsdfPrincipled")
    if colour is not None:
        shader.inputs["Base Color"].default_value = (*colour, 1)
    shader.inputs["Roughness"].default_value = roughness
    shader.inputs["Specular"].default_value = specular
    return shader


def _math(nodes, links, operation, a, b):
    node = nodes.new("ShaderNodeMath")
    node.operation = operation
    for slot, value in ((0, a), (1, b)):
        if isinstance(value, (int, float)):
            node.inputs[slot].default_value = value
        else:
            links.new(value, node.inputs[slot])
    return node.outputs[0]


def _mix(nodes, links, kind, factor, a, b):
    node = nodes.new("ShaderNodeMixRGB")
    node.blend_type = kind
    for slot, value in ((0, factor), (1, a), (2, b)):
        if isinstance(value, (int, float)):
            node.inputs[slot].default_value = value
        elif isinstance(value, tuple):
            node.inputs[slot].default_value = (*value, 1)
        else:
            links.new(value, node.inputs[slot])
    return node.outputs[0]


def leaf(name, veins, vein_colour, vein_share, roughness, specular, through, bump, back=(0.36, 0.44, 0.22)):
    """Returns a leaf: colour per vertex, veins and blisters from a picture, waxy sheen, light passing through."""
    material, nodes, links, output = _material(name)
    place = nodes.new("ShaderNodeAttribute")
    place.attribute_name = "place"
    colour = nodes.new("ShaderNodeAttribute")
    colour.attribute_name = "tissue"
    picture = nodes.new("ShaderNodeTexImage")
    picture.image = veins
    picture.extension = "EXTEND"
    links.new(place.outputs["Vector"], picture.inputs["Vector"])
    split = nodes.new("ShaderNodeSeparateColor")
    links.new(picture.outputs["Color"], split.inputs[0])
    vein, height, mottle = split.outputs
    shade = _math(nodes, links, "MULTIPLY_ADD", mottle, 0.40)
    nodes[-1].inputs[2].default_value = 0.80
    tone = _math(nodes, links, "MULTIPLY_ADD", height, 0.50)
    nodes[-1].inputs[2].default_value = 0.66
    tone = _math(nodes, links, "MULTIPLY", tone, shade)
    base = _mix(nodes, links, "MULTIPLY", 1.0, colour.outputs["Color"], tone)
    base = _mix(nodes, links, "MIX", _math(nodes, links, "MULTIPLY", vein, vein_share), base, vein_colour)
    geometry = nodes.new("ShaderNodeNewGeometry")
    base = _mix(nodes, links, "MIX", _math(nodes, links, "MULTIPLY", geometry.outputs["Backfacing"], 0.35), base, back)
    relief = nodes.new("ShaderNodeBump")
    relief.inputs["Strength"].default_value = bump
    relief.inputs["Distance"].default_value = 1.6
    links.new(height, relief.inputs["Height"])
    surface = _principled(nodes, None, roughness, specular)
    links.new(base, surface.inputs["Base Color"])
    links.new(relief.outputs[0], surface.inputs["Normal"])
    glow = nodes.new("ShaderNodeBsdfTranslucent")
    links.new(_mix(nodes, links, "MULTIPLY", 1.0, base, (1.45, 1.35, 0.45)), glow.inputs["Color"])
    links.new(relief.outputs[0], glow.inputs["Normal"])
    both = nodes.new("ShaderNodeMixShader")
    both.inputs[0].default_value = through
    links.new(surface.outputs[0], both.inputs[1])
    links.new(glow.outputs[0], both.inputs[2])
    links.new(both.outputs[0], output.inputs["Surface"])
    return material


def painted(name, image, roughness=0.75, specular=0.3, nearest=False, beads=False):
    """Returns a surface coloured by a picture over the mesh's UV."""
    material, nodes, links, output = _material(name)
    picture = nodes.new("ShaderNodeTexImage")
    picture.image = image
    picture.extension = "EXTEND"
    picture.interpolation = "Closest" if nearest else "Linear"
    surface = _principled(nodes, None, roughness, specular)
    links.new(picture.outputs["Color"], surface.inputs["Base Color"])
    if beads:
        coordinates = nodes.new("ShaderNodeTexCoord")
        grain = nodes.new("ShaderNodeTexVoronoi")
        grain.inputs["Scale"].default_value = 0.24
        links.new(coordinates.outputs["Object"], grain.inputs["Vector"])
        relief = nodes.new("ShaderNodeBump")
        relief.inputs["Strength"].default_value = 0.25
        relief.inputs["Distance"].default_value = 0.6
        relief.invert = True
        links.new(grain.outputs["Distance"], relief.inputs["Height"])
        links.new(relief.outputs[0], surface.inputs["Normal"])
    links.new(surface.outputs[0], output.inputs["Surface"])
    return material


def printed(name, image):
    """Returns a laminated print: the picture's black and white as dark grey and paper white."""
    material = painted(name, image, 0.45, 0.4, nearest=True)
    nodes, links = material.node_tree.nodes, material.node_tree.links
    picture = next(n for n in nodes if n.type == "TEX_IMAGE")
    surface = next(n for n in nodes if n.type == "BSDF_PRINCIPLED")
    links.new(_mix(nodes, links, "MIX", picture.outputs["Color"], (0.018, 0.018, 0.02), (0.80, 0.80, 0.80)), surface.inputs["Base Color"])
    return material


def plain(name, colour, roughness=0.6, specular=0.4, grain=0.0, scale=0.2):
    """Returns a plain or grainy surface of one colour."""
    material, nodes, links, output = _material(name)
    surface = _principled(nodes, colour, roughness, specular)
    if grain:
        coordinates = nodes.new("ShaderNodeTexCoord")
        noise = nodes.new("ShaderNodeTexNoise")
        noise.inputs["Scale"].default_value = scale
        noise.inputs["Detail"].default_value = 6
        links.new(coordinates.outputs["Object"], noise.inputs["Vector"])
        dark = tuple(c * (1 - grain) for c in colour)
        light = tuple(min(1, c * (1 + grain)) for c in colour)
        ramp = nodes.new("ShaderNodeValToRGB")
        ramp.color_ramp.elements[0].position, ramp.color_ramp.elements[1].position = 0.35, 0.65
        ramp.color_ramp.elements[0].color, ramp.color_ramp.elements[1].color = (*dark, 1), (*light, 1)
        links.new(noise.outputs["Fac"], ramp.inputs[0])
        links.new(ramp.outputs[0], surface.inputs["Base Color"])
        relief = nodes.new("ShaderNodeBump")
        relief.inputs["Strength"].default_value = 0.6
        relief.inputs["Distance"].default_value = 1.5
        links.new(noise.outputs["Fac"], relief.inputs["Height"])
        links.new(relief.outputs[0], surface.inputs["Normal"])
    links.new(surface.outputs[0], output.inputs["Surface"])
    return material


def water():
    """Returns dark pond water with a faint ripple; its bed and floating bits are part of the colour."""
    material, nodes, links, output = _material("water")
    coordinates = nodes.new("ShaderNodeTexCoord")
    bed = nodes.new("ShaderNodeTexNoise")
    bed.inputs["Scale"].default_value = 0.012
    bed.inputs["Detail"].default_value = 8
    links.new(coordinates.outputs["Object"], bed.inputs["Vector"])
    ramp = nodes.new("ShaderNodeValToRGB")
    ramp.color_ramp.elements[0].position, ramp.color_ramp.elements[1].position = 0.35, 0.72
    ramp.color_ramp.elements[0].color, ramp.color_ramp.elements[1].color = (0.006, 0.010, 0.008, 1), (0.022, 0.030, 0.018, 1)
    links.new(bed.outputs["Fac"], ramp.inputs[0])
    ripple = nodes.new("ShaderNodeTexNoise")
    ripple.inputs["Scale"].default_value = 0.02
    ripple.inputs["Detail"].default_value = 2
    links.new(coordinates.outputs["Object"], ripple.inputs["Vector"])
    relief = nodes.new("ShaderNodeBump")
    relief.inputs["Strength"].default_value = 0.35
    relief.inputs["Distance"].default_value = 6
    links.new(ripple.outputs["Fac"], relief.inputs["Height"])
    surface = _principled(nodes, None, 0.10, 0.25)
    links.new(ramp.outputs[0], surface.inputs["Base Color"])
    links.new(relief.outputs[0], surface.inputs["Normal"])
    links.new(surface.outputs[0], output.inputs["Surface"])
    return material
