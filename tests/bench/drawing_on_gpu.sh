#!/bin/bash
# Frame time against ribbons of light on a graphics card elsewhere, from what is built here.
#
#   tests/bench/drawing_on_gpu.sh pack BUILD FOLDER    here: the benchmark and the libraries it needs, into FOLDER
#   FOLDER/run.sh > rows.json                          there: needs an x86-64 Linux not older than the one that built
#                                                      it, the card's driver, and libEGL.so.1 of libglvnd (packed, too)
#
# On a machine without a card the same binary draws with Mesa's software renderer: BUILD/tests/beamfork_bench_drawing
set -euo pipefail
[ "${1:-}" = pack ] && [ $# = 3 ] || { sed -n 2,9p "$0"; exit 2; }
build=$2
folder=$3
ninja -C "$build" beamfork_bench_drawing
mkdir -p "$folder/lib"
cp "$build/tests/beamfork_bench_drawing" "$folder/"
strip "$folder/beamfork_bench_drawing"
# All but the C library, which must be the other machine's own, as its loader is.
ldd "$folder/beamfork_bench_drawing" | awk '$3 ~ /^\// { print $3 }' \
    | grep -vE '/(libc|libm|libpthread|libdl|librt)\.so' | xargs -I{} cp -L {} "$folder/lib/"
cat > "$folder/run.sh" <<'RUN'
#!/bin/bash
here=$(cd "$(dirname "$0")" && pwd)
export LD_LIBRARY_PATH="$here/lib:${LD_LIBRARY_PATH:-}"
if [ -z "${__EGL_VENDOR_LIBRARY_FILENAMES:-}" ]; then
    vendor=$(find /usr /etc -name '10_nvidia.json' -path '*egl_vendor.d*' 2>/dev/null | head -n 1)
    [ -z "$vendor" ] || export __EGL_VENDOR_LIBRARY_FILENAMES=$vendor
fi
exec "$here/beamfork_bench_drawing" "$@"
RUN
chmod +x "$folder/run.sh"
du -sh "$folder"
