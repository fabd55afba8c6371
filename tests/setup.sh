#!/usr/bin/env bash
# What the tests need beyond Node: xmllint and the Nu checker's Java (judge the SVG), rsvg-convert (draws it), qpdf and
# poppler's tools (judge the PDF), Chromium (draws and prints as a browser does) and the typeface of the sheet.
set -euo pipefail

need=()
command -v xmllint >/dev/null 2>&1 || need+=(libxml2-utils)
command -v rsvg-convert >/dev/null 2>&1 || need+=(librsvg2-bin)
command -v java >/dev/null 2>&1 || need+=(default-jre-headless)
command -v qpdf >/dev/null 2>&1 || need+=(qpdf)
command -v pdftoppm >/dev/null 2>&1 || need+=(poppler-utils)
command -v chromium >/dev/null 2>&1 || need+=(chromium)
fc-list 2>/dev/null | grep 'DejaVuSansCondensed.ttf' >/dev/null || need+=(fonts-dejavu-extra fontconfig)
[ ${#need[@]} -eq 0 ] && exit 0

say() { echo "The tests need these Debian packages: ${need[*]}" >&2; }
if ! command -v apt-get >/dev/null 2>&1; then
  say; echo "This machine has no apt-get: install their equivalents, then run npm test again." >&2; exit 1
fi
as_root=()
if [ "$(id -u)" -ne 0 ]; then
  command -v sudo >/dev/null 2>&1 || { say; echo "Run as root: apt-get install -y ${need[*]}" >&2; exit 1; }
  as_root=(sudo -n)
fi
install() { DEBIAN_FRONTEND=noninteractive "${as_root[@]}" apt-get install -y --no-install-recommends "${need[@]}"; }
install >/dev/null 2>&1 || { "${as_root[@]}" apt-get update >/dev/null 2>&1 && install >/dev/null; } || {
  say; echo "They could not be installed here. Run as root: apt-get install -y ${need[*]}" >&2; exit 1; }
