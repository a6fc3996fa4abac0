"""Reads a 3MF file with lib3mf (Debian: lib3mf1), in its strict mode, and says as
JSON what it warns of and what objects it finds."""
import ctypes
import json
import sys

lib = ctypes.CDLL("lib3MF.so.1")


def call(name, *args):
    status = getattr(lib, "lib3mf_" + name)(*args)
    if status != 0:
        raise SystemExit(f"lib3mf_{name}: error 0x{status & 0xffffffff:x}")


def handle(name, *args):
    h = ctypes.c_void_p()
    call(name, *args, ctypes.byref(h))
    return h


def number(name, *args):
    n = ctypes.c_uint32()
    call(name, *args, ctypes.byref(n))
    return n.value


def flag(name, *args):
    b = ctypes.c_bool()
    call(name, *args, ctypes.byref(b))
    return b.value


model = handle("createmodel")
reader = handle("model_queryreader", model, b"3mf")
call("reader_setstrictmodeactive", reader, ctypes.c_bool(True))
call("reader_readfromfileutf8", reader, sys.argv[1].encode())
said = {"strict": flag("reader_getstrictmodeactive", reader), "unit": number("model_getunit", model), "warnings": [], "objects": []}
for i in range(number("reader_getwarningcount", reader)):
    code, room, text = ctypes.c_int32(), ctypes.c_uint32(), ctypes.create_string_buffer(4096)
    call("reader_getwarningutf8", reader, ctypes.c_uint32(i), ctypes.byref(code), text, ctypes.c_uint32(4096), ctypes.byref(room))
    said["warnings"].append(text.value.decode())
objects = handle("model_getmeshobjects", model)
while flag("resourceiterator_movenext", objects):
    mesh = handle("resourceiterator_getcurrent", objects)
    said["objects"].append({
        "triangles": number("meshobject_gettrianglecount", mesh),
        "closed": flag("meshobject_ismanifoldandoriented", mesh),
    })
print(json.dumps(said))
