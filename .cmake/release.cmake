# cmake -C .cmake/release.cmake -B .build/release
set(CMAKE_BUILD_TYPE Release CACHE STRING "")
set(CMAKE_CXX_FLAGS_RELEASE "-O2 -DNDEBUG" CACHE STRING "")
# At one place of memory: to move 25,000 addresses of tables at each start is a sixth of a verdict.
set(CMAKE_EXE_LINKER_FLAGS "-no-pie" CACHE STRING "")
set(CMAKE_UNITY_BUILD ON CACHE BOOL "")
set(BEADBOOK_PROPERTIES ON CACHE BOOL "")
