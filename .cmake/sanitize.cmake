# cmake -C .cmake/sanitize.cmake -B .build/sanitize: AddressSanitizer, UBSan and the tests.
set(CMAKE_BUILD_TYPE Sanitize CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++-14 CACHE STRING "") # twice as fast here as g++, with the sanitizers
set(CMAKE_CXX_FLAGS_SANITIZE "-O1 -g1 -fno-pie" CACHE STRING "") # tests then take a third, and the build some more
# The tests start it by the thousand, and moving it costs half of a start. lld links in a fifth of the time.
set(CMAKE_EXE_LINKER_FLAGS "-no-pie -fuse-ld=lld" CACHE STRING "")
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(BEADBOOK_SANITIZE ON CACHE BOOL "")
set(BEADBOOK_TESTS ON CACHE BOOL "")
