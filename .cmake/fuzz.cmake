# cmake -C .cmake/fuzz.cmake -B .build/fuzz: libFuzzer targets, with clang.
set(CMAKE_BUILD_TYPE Fuzz CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_CXX_FLAGS_FUZZ "-O1 -g1 -fsanitize=fuzzer-no-link" CACHE STRING "")
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(BEADBOOK_SANITIZE ON CACHE BOOL "")
set(BEADBOOK_FUZZ ON CACHE BOOL "")
