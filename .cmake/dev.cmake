# cmake -C .cmake/dev.cmake -B .build/dev: for work on the code. Each file is compiled alone, so that an edit costs one.
set(CMAKE_BUILD_TYPE Debug CACHE STRING "")
set(CMAKE_CXX_FLAGS_DEBUG "-O0" CACHE STRING "")
