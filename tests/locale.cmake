# A locale whose decimal sign is a comma, made here so that no test depends on what the machine has installed.
# comma_run(program): the whole program once more under it, as <program>.comma
find_program(LOCALEDEF localedef REQUIRED)
set(COMMA_LOCALES ${CMAKE_CURRENT_BINARY_DIR}/locales)
if(NOT EXISTS ${COMMA_LOCALES}/de_DE.UTF-8/LC_NUMERIC)
    file(MAKE_DIRECTORY ${COMMA_LOCALES})
    execute_process(COMMAND ${LOCALEDEF} --no-archive -i de_DE -f UTF-8 ${COMMA_LOCALES}/de_DE.UTF-8
        RESULT_VARIABLE failed ERROR_VARIABLE message)
    if(failed)
        message(FATAL_ERROR "localedef could not make de_DE.UTF-8 (package `locales`): ${message}")
    endif()
endif()

# The gate takes no number from a text, and walking its whole state space twice buys nothing. Under the sanitizers glibc
# itself leaks what LOCPATH said.
function(comma_run program)
    if(program MATCHES "^gate" OR MF_SANITIZE)
        return()
    endif()
    add_test(NAME ${program}.comma COMMAND ${program} --gtest_brief=1)
    set_tests_properties(${program}.comma PROPERTIES LABELS comma TIMEOUT 600
        ENVIRONMENT "LOCPATH=${COMMA_LOCALES};MF_TEST_LOCALE=de_DE.UTF-8")
endfunction()
