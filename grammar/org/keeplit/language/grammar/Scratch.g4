grammar Scratch;
x : 'a' EOF ;
