@echo off
rem SPDX-License-Identifier: Apache-2.0
rem Runs Raftgauge; builds it first where there is no build of the sources as they are.
setlocal
set "BATCH=%~dp0"
set "JAR=%BATCH%target\raftgauge.jar"
set "LOG=%BATCH%target\build.log"
set "JAVA=java"
if defined JAVA_HOME if exist "%JAVA_HOME%\bin\java.exe" set "JAVA=%JAVA_HOME%\bin\java.exe"

rem The version goes through a file: a pipe from a quoted path does not survive FOR.
set "SAID=%TEMP%\raftgauge-%RANDOM%%RANDOM%.txt"
"%JAVA%" -version >"%SAID%" 2>&1
if errorlevel 1 (
  del "%SAID%" >nul 2>&1
  echo raftgauge: Java is missing; install a JDK, version 17 or newer, and try again. 1>&2
  exit /b 3
)
set "MAJOR="
for /f "tokens=3" %%v in ('findstr /c:" version " "%SAID%"') do (
  for /f "tokens=1 delims=.-" %%m in ("%%~v") do set "MAJOR=%%m"
)
del "%SAID%" >nul 2>&1
if not defined MAJOR set "MAJOR=0"
if %MAJOR% LSS 17 (
  echo raftgauge: Java 17 or newer is needed, this one is %MAJOR%; install a newer JDK or set JAVA_HOME. 1>&2
  exit /b 3
)

rem On a cluster: the module with Spark is built too. CMD takes = between arguments for a blank.
set "BUILT=%JAR%"
set "MODULES=core,batch"
set "CLUSTER="
if "%~1"=="cluster" if not "%~2"=="" if not "%~2"=="--help" if not "%~2"=="-h" set "CLUSTER=yes"
:arguments
if "%~1"=="" goto known
if "%~1"=="--engine" if "%~2"=="spark" set "CLUSTER=yes"
shift /1
goto arguments
:known
if defined CLUSTER set "BUILT=%BATCH%cluster\target\raftgauge-cluster.jar"
if defined CLUSTER set "MODULES=core,batch,batch/cluster"

powershell -NoProfile -Command "if (-not ((Test-Path -LiteralPath $env:BUILT) -and (Test-Path -LiteralPath $env:JAR) -and (Test-Path -LiteralPath (Join-Path $env:BATCH 'target\lib')))) { exit 1 }; $t = (Get-Item -LiteralPath $env:BUILT).LastWriteTimeUtc; $b = $env:BATCH; $r = Join-Path $b '..'; $f = @(Get-ChildItem -File -Recurse -LiteralPath (Join-Path $r 'core\src\main'), (Join-Path $b 'src\main')) + @(Get-Item -LiteralPath (Join-Path $r 'pom.xml'), (Join-Path $r 'core\pom.xml'), (Join-Path $b 'pom.xml')); if ($env:CLUSTER) { $f += @(Get-ChildItem -File -Recurse -LiteralPath (Join-Path $b 'cluster\src\main')) + @(Get-Item -LiteralPath (Join-Path $b 'cluster\pom.xml')) }; if ($f | Where-Object { $_.LastWriteTimeUtc -gt $t }) { exit 1 }; exit 0"
if not errorlevel 1 goto run

where mvn >nul 2>&1
if errorlevel 1 (
  echo raftgauge: it has to be built once and Maven, mvn, is missing; install Maven 3.6.3 or newer and try again. 1>&2
  exit /b 3
)
echo raftgauge: building once; this takes a minute or two ... 1>&2
if not exist "%BATCH%target" mkdir "%BATCH%target"
pushd "%BATCH%.."
call mvn -q -B -Dmaven.test.skip=true -Dwarnings=-Xlint:none -Dspotless.check.skip=true -pl %MODULES% -am package >"%LOG%" 2>&1
set "RESULT=%ERRORLEVEL%"
popd
if not "%RESULT%"=="0" (
  type "%LOG%" 1>&2
  echo raftgauge: the build failed; its messages are above and in "%LOG%" 1>&2
  exit /b 3
)
powershell -NoProfile -Command "Get-Item -LiteralPath $env:JAR, $env:BUILT | ForEach-Object { $_.LastWriteTime = Get-Date }"

:run
"%JAVA%" "@%BATCH%java.options" -jar "%JAR%" %*
exit /b %ERRORLEVEL%
