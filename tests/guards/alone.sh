#!/usr/bin/env bash
# The server is one file that runs on a bare Debian: it leans on the C library and
# nothing else. No database client, no TLS library, no engine from the system.
#   tests/guards/alone.sh PATH-OF-THE-BINARY
set -euo pipefail
export LC_ALL=C PATH=$PATH:/usr/sbin:/sbin
bin=${1:?"give the path of the binary"}

fail() {
    echo "alone: $*"
    exit 1
}
[ -x "$bin" ] || fail "$bin is not there"

if ! listing=$(ldd "$bin" 2>&1); then
    case $listing in
    *"not a dynamic executable"* | *"statically linked"*) listing="" ;;
    *) fail "ldd cannot read $bin: $listing" ;;
    esac
fi

# Library names, without folder and address.
names=$(awk 'NF && !/statically linked/ { n = $1; sub(/.*\//, "", n); print n }' <<<"$listing")
broken=0
for name in $names; do
    case $name in
    linux-vdso.so.* | linux-gate.so.* | libc.so.6 | libm.so.6 | libgcc_s.so.1 | ld-linux*.so.*) ;;
    *)
        echo "alone: $bin needs $name, which a bare system does not have"
        broken=1
        ;;
    esac
done
[ "$broken" = 0 ] || exit 1

# The proof: a root folder with these libraries and the binary, and no more.
if [ "$(id -u)" = 0 ]; then
    enter=(chroot)
elif unshare -r true 2>/dev/null; then
    enter=(unshare -r chroot)
else
    enter=()
fi
if [ "${#enter[@]}" = 0 ]; then
    echo "alone: needs only: $(echo $names) (not tried in an empty root: no right to)"
    exit 0
fi
root=$(mktemp -d)
trap 'rm -rf "$root"' EXIT
while read -r lib; do
    mkdir -p "$root$(dirname "$lib")"
    cp -L "$lib" "$root$lib"
done < <(grep -o '/[^ ]*' <<<"$listing" | grep -v '^/.*:$' | sort -u)
cp "$bin" "$root/gambrel"
"${enter[@]}" "$root" /gambrel --version >"$root/out" 2>&1 </dev/null ||
    fail "\`gambrel --version\` fails in an empty root: $(cat "$root/out")"
echo "alone: runs in an empty root with only: $(echo $names)"
