# cmake -DPROGRAM=... -DVERSION=... -DTO=... -P documents.cmake: what a package holds beside the program, made by the
# program itself: manual pages, completions; and the copyright and changelog that Debian asks for.
function(told out)
  execute_process(COMMAND ${PROGRAM} ${ARGN} OUTPUT_VARIABLE text COMMAND_ERROR_IS_FATAL ANY)
  set(${out} "${text}" PARENT_SCOPE)
endfunction()
function(packed file text)
  file(WRITE ${file} "${text}")
  execute_process(COMMAND gzip -9nf ${file} COMMAND_ERROR_IS_FATAL ANY)
endfunction()

told(overview manual)
packed(${TO}/man/man1/beadbook.1 "${overview}")
string(REGEX MATCHALL "beadbook[\\]-[a-z]+" pages "${overview}")
foreach(page IN LISTS pages)
  string(REGEX REPLACE ".*-" "" command "${page}")
  told(text manual ${command})
  packed(${TO}/man/man1/beadbook-${command}.1 "${text}")
endforeach()

foreach(shell bash zsh fish)
  told(${shell} completion ${shell})
endforeach()
file(WRITE ${TO}/bash-completion/completions/beadbook "${bash}")
file(WRITE ${TO}/zsh/vendor-completions/_beadbook "${zsh}")
file(WRITE ${TO}/fish/vendor_completions.d/beadbook.fish "${fish}")

file(WRITE ${TO}/doc/beadbook/copyright "Format: https://www.debian.org/doc/packaging-manuals/copyright-format/1.0/
Upstream-Name: beadbook

Files: *
Copyright: the beadbook developers
License: none-granted
 All rights reserved. The numbers in the criteria are facts that stand in the
 standards that each file names; no file replaces its standard.
")
string(TIMESTAMP today "%a, %d %b %Y 00:00:00 +0000" UTC)
packed(${TO}/doc/beadbook/changelog "beadbook (${VERSION}) unstable; urgency=low

  * This version; what changed is told by the log of its source.

 -- the beadbook developers <none@localhost>  ${today}
")
