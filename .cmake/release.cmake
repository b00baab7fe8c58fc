# cmake -C .cmake/release.cmake -B .build/release
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG" CACHE STRING "")
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
