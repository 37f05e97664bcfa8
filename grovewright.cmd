@echo off
rem Runs Grovewright on Windows, building it first if it was never built.
rem After changing or updating the sources, delete app\target to build again.
setlocal
set "HERE=%~dp0"
set "JAVA=java"
if defined JAVA_HOME set "JAVA=%JAVA_HOME%\bin\java"
"%JAVA%" -version >nul 2>&1
if errorlevel 1 (
  echo grovewright: no Java was found. Install a Java development kit, version 17 or newer. 1>&2
  exit /b 2
)
if not exist "%HERE%app\target\lib" (
  echo grovewright: building, this takes a minute the first time ... 1>&2
  pushd "%HERE%"
  call mvnw.cmd -B -q -ntp -pl engine,app -DskipTests package 1>&2
  if errorlevel 1 (
    popd
    exit /b 3
  )
  popd
)
rem The server runs for hours, so only it gains by the second compiler.
set "COMPILERS=-XX:TieredStopAtLevel=1"
if "%~1"=="" set "COMPILERS=-XX:+TieredCompilation"
if "%~1"=="serve" set "COMPILERS=-XX:+TieredCompilation"
"%JAVA%" %COMPILERS% -XX:+UseSerialGC -Xshare:auto -Dfile.encoding=UTF-8 -cp "%HERE%app\target\*;%HERE%app\target\lib\*" org.grovewright.cli.GrovewrightCommand %*
exit /b %ERRORLEVEL%
