# cmake -C .cmake/tidy.cmake -B .build/tidy: the commands that .ci/tidy reads; nothing is built there but what is generated.
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_COMPILER clang++ CACHE STRING "")
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
